using System.Globalization;
using NameBand.Lettering.Bidi;
using NameBand.Lettering.Faces;
using HbScript = HarfBuzzSharp.Script;
using HbUnicode = HarfBuzzSharp.UnicodeFunctions;

namespace NameBand.Lettering.Shaping;

/// <summary>Cuts a name into runs. Grapheme clusters (UAX 29) are never cut.</summary>
internal static class Itemiser
{
    private sealed class Cluster
    {
        public required int Start { get; init; }

        public required string Text { get; init; }

        public HbScript Script { get; set; }

        /// <summary>The script was not the cluster's own but taken from its neighbours.</summary>
        public bool IsShared { get; set; }

        public Face? Face { get; set; }
    }

    public static Itemised Split(string text, FaceChain chain)
    {
        var clusters = Clusters(text);
        ShareScripts(clusters);
        var unshown = ChooseFaces(clusters, chain);
        return unshown.Count > 0 ? new Itemised([], unshown) : new Itemised(Runs(text, clusters), []);
    }

    /// <summary>Whether any letter of a name is drawn by the chosen face itself; signs that belong to every script do not count.</summary>
    public static bool HasLetterOfChosen(string text, FaceChain chain)
    {
        var clusters = Clusters(text);
        ShareScripts(clusters);
        return clusters.Any(c => !c.IsShared && chain.For(c.Text, c.Script) == chain.Chosen);
    }

    private static List<Cluster> Clusters(string text)
    {
        var clusters = new List<Cluster>(text.Length);
        for (int at = 0; at < text.Length;)
        {
            int length = StringInfo.GetNextTextElementLength(text, at);
            string cluster = text.Substring(at, length);
            clusters.Add(new Cluster { Start = at, Text = cluster, Script = ScriptOf(cluster) });
            at += length;
        }

        return clusters;
    }

    /// <summary>The script of the first character that has one of its own, else Common.</summary>
    private static HbScript ScriptOf(string cluster)
    {
        foreach (var rune in cluster.EnumerateRunes())
        {
            HbScript script = rune.Value is (>= 'a' and <= 'z') or (>= 'A' and <= 'Z')
                ? HbScript.Latin
                : HbUnicode.Default.GetScript(rune.Value);
            if (script != HbScript.Common && script != HbScript.Inherited)
            {
                return script;
            }
        }

        return HbScript.Common;
    }

    /// <summary>Blanks, digits and punctuation take the script before them; at the beginning, the one after them.</summary>
    private static void ShareScripts(List<Cluster> clusters)
    {
        var current = HbScript.Common;
        foreach (var cluster in clusters)
        {
            cluster.IsShared = cluster.Script == HbScript.Common;
            current = cluster.IsShared ? current : cluster.Script;
            cluster.Script = current;
        }

        var following = clusters.FirstOrDefault(c => !c.IsShared)?.Script ?? HbScript.Common;
        foreach (var cluster in clusters.TakeWhile(c => c.IsShared))
        {
            cluster.Script = following;
        }
    }

    private static List<UnshownSign> ChooseFaces(List<Cluster> clusters, FaceChain chain)
    {
        var unshown = new List<UnshownSign>();
        foreach (var cluster in clusters)
        {
            if (SignKinds.IsUnreadable(cluster.Text))
            {
                unshown.Add(new UnshownSign(cluster.Start, cluster.Text, false));
            }
            else if (SignKinds.IsPicture(cluster.Text))
            {
                unshown.Add(new UnshownSign(cluster.Start, cluster.Text, true));
            }
            else if (!cluster.IsShared && (cluster.Face = chain.For(cluster.Text, cluster.Script)) is null)
            {
                unshown.AddRange(Lacking(cluster, chain));
            }
        }

        if (unshown.Count > 0)
        {
            AddLackingShared(clusters, chain, unshown);
            return unshown;
        }

        Face? beside = clusters.FirstOrDefault(c => c.Face is not null)?.Face;
        foreach (var cluster in clusters)
        {
            // What belongs to every script keeps to the face beside it, so that brackets match and kerning holds.
            cluster.Face ??= beside is not null && FaceChain.Covers(beside, cluster.Text)
                ? beside : chain.For(cluster.Text, HbScript.Common);
            if (cluster.Face is null)
            {
                unshown.AddRange(Lacking(cluster, chain));
            }

            beside = cluster.Face ?? beside;
        }

        return unshown;
    }

    private static void AddLackingShared(List<Cluster> clusters, FaceChain chain, List<UnshownSign> unshown)
    {
        foreach (var cluster in clusters.Where(c => c.IsShared && !SignKinds.IsPicture(c.Text) && !SignKinds.IsUnreadable(c.Text)))
        {
            if (chain.For(cluster.Text, HbScript.Common) is null)
            {
                unshown.AddRange(Lacking(cluster, chain));
            }
        }

        unshown.Sort((a, b) => a.Start.CompareTo(b.Start));
    }

    /// <summary>The characters of a cluster that no face has; the whole cluster where no single face has them together.</summary>
    private static List<UnshownSign> Lacking(Cluster cluster, FaceChain chain)
    {
        var lacking = new List<UnshownSign>();
        int at = cluster.Start;
        foreach (var rune in cluster.Text.EnumerateRunes())
        {
            string character = rune.ToString();
            if (!chain.AnyHas(character, HbScript.Common))
            {
                lacking.Add(new UnshownSign(at, character, false));
            }

            at += rune.Utf16SequenceLength;
        }

        return lacking.Count > 0 ? lacking : [new UnshownSign(cluster.Start, cluster.Text, false)];
    }

    private static List<TextRun> Runs(string text, List<Cluster> clusters)
    {
        byte[] levels = BidiLevels.OfText(text);
        var runs = new List<TextRun>();
        foreach (var cluster in clusters)
        {
            byte level = levels[cluster.Start];
            if (runs.Count > 0 && runs[^1] is var last && last.Level == level && last.Script == cluster.Script && last.Face == cluster.Face)
            {
                runs[^1] = last with { Length = last.Length + cluster.Text.Length };
            }
            else
            {
                runs.Add(new TextRun(cluster.Start, cluster.Text.Length, level, cluster.Script, cluster.Face!));
            }
        }

        return runs;
    }
}
