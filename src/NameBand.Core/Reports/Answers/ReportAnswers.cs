using NameBand.Common;

namespace NameBand.Reports.Answers;

/// <summary>What a command answers from a report of the front door: the reports themselves know nothing of how they are told.</summary>
public static class ReportAnswers
{
    extension(AnswersReport report)
    {
        /// <summary>What the command answers.</summary>
        public CommandAnswer Answer => AnswersAnswer.Of(report);
    }

    extension(CheckReport report)
    {
        /// <summary>What the command answers.</summary>
        public CommandAnswer Answer => CheckAnswer.Of(report);
    }

    extension(FacesReport report)
    {
        /// <summary>What the command answers.</summary>
        public CommandAnswer Answer => FacesAnswer.Of(report);
    }

    extension(HoursReport report)
    {
        /// <summary>What the command answers.</summary>
        public CommandAnswer Answer => HoursTelling.Of(report);
    }

    extension(InviteReport report)
    {
        /// <summary>What the command answers.</summary>
        public CommandAnswer Answer => InviteAnswer.Of(report);
    }

    extension(MakeReport report)
    {
        /// <summary>What the command answers.</summary>
        public CommandAnswer Answer => MakeTelling.Of(report);
    }

    extension(MeasureReport report)
    {
        /// <summary>What the command answers.</summary>
        public CommandAnswer Answer => MeasureAnswer.Of(report);
    }

    extension(NamesReport report)
    {
        /// <summary>What the command answers.</summary>
        public CommandAnswer Answer => NamesAnswer.Of(report);
    }

    extension(PlansReport report)
    {
        /// <summary>What the command answers.</summary>
        public CommandAnswer Answer => PlansTelling.Of(report);

        /// <summary>The step from the job as it is set to a plan, in words; empty where nothing of it is seen.</summary>
        public Said StepTo(OfferedPlan plan) =>
            report.AsSet is null || (plan.Edits.IsEmpty && plan.Mends.IsEmpty) ? "" : PlanStep.InWords(plan, report.AsSet);

        /// <summary>The work of two plans, act by act.</summary>
        public static ToldComparison Beside(OfferedPlan plan, OfferedPlan other) => PlansTelling.Beside(plan, other, other.Mark);
    }

    extension(PublicReport report)
    {
        /// <summary>What the command answers.</summary>
        public CommandAnswer Answer => PublicAnswer.Of(report);
    }

    extension(SewingReport report)
    {
        /// <summary>What the command answers.</summary>
        public CommandAnswer Answer => SewnAnswer.Of(report);
    }

    extension(SpoiledReport report)
    {
        /// <summary>What the command answers.</summary>
        public CommandAnswer Answer => SpoiledAnswer.Of(report);
    }

    extension(SwatchReport report)
    {
        /// <summary>What the command answers.</summary>
        public CommandAnswer Answer => SwatchAnswer.Of(report);
    }

    extension(PullReport report)
    {
        /// <summary>What the command answers.</summary>
        public CommandAnswer Answer => PullAnswer.Of(report);
    }

    extension(ShorteningReport report)
    {
        /// <summary>What the command answers.</summary>
        public CommandAnswer Answer => ShorteningAnswer.Of(report);
    }
}
