namespace NameBand.Web.Serving;

/// <summary>A port of this computer cannot be answered on, most often because another program does.</summary>
public sealed class PortException(int port, Exception cause)
    : Exception(FormattableString.Invariant(
        $"Port {port} of this computer cannot be answered on: {cause.Message.TrimEnd('.')}. Choose another with --port."), cause);
