using NameBand.Common;

namespace NameBand.Web.Serving;

/// <summary>A port of this computer cannot be answered on, most often because another program does.</summary>
public sealed class PortException(int port, Exception cause) : Exception(cause.Message, cause)
{
    public Said InWords { get; } =
        $"Port {port} of this computer cannot be answered on: {cause.Message.TrimEnd('.')}. Choose another with --port.";
}
