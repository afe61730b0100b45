namespace NameBand.Web.Table;

/// <summary>Waiting for what was set to be laid out.</summary>
internal static class LaidWaiting
{
    /// <summary>Until it is laid out, or cannot be.</summary>
    public static async Task LaidAsync(this Worktable table)
    {
        var laid = new TaskCompletionSource(TaskCreationOptions.RunContinuationsAsynchronously);
        void Look()
        {
            if (!table.Now.IsLaying)
            {
                laid.TrySetResult();
            }
        }

        table.Changed += Look;
        try
        {
            Look();
            await laid.Task.ConfigureAwait(false);
        }
        finally
        {
            table.Changed -= Look;
        }
    }
}
