using System.Net;
using System.Net.Sockets;
using System.Text;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Routing;
using Microsoft.Extensions.DependencyInjection;
using NameBand.Web.Machine;
using NameBand.Web.Serving;
using NameBand.Web.Table;
using Xunit;

namespace NameBand.Tests.Web;

/// <summary>The worktable of a small job, served in this process, and what may be said to it, sound or not.</summary>
public sealed class ServedPage : IAsyncLifetime
{
    public const string Name = "Ottilie Marsh";

    private readonly TemporaryFolder _job = new TemporaryFolder()
        .With("job.json", """{ "format": 1, "lists": ["names.csv"], "hem": { "length": "1.2 m" } }""").With("names.csv", $"name\n{Name}\n");

    private readonly Worktable _table;
    private readonly Socket _door;
    private readonly WebApplication _app;

    public ServedPage()
    {
        _table = new Worktable(_job.FullPath);
        _door = PageServer.Listen(0);
        _app = PageServer.Build(_door, _table, Key, new PageOptions(_job.FullPath, 0, false));
        Port = ((IPEndPoint)_door.LocalEndPoint!).Port;
    }

    internal PageKey Key { get; } = PageKey.New();

    public int Port { get; }

    public string Job => _job.FullPath;

    public string Cookie => $"{PageKey.CookieName(Port)}={Key.Cookie}";

    /// <summary>The server for screens at the machine; whoever starts it ends it.</summary>
    internal Task<WebApplication> LendAsync(LendDesk desk) => LendServer.StartAsync(
        new PageOptions(Job, 0, true), _table, desk, _app.Services.GetRequiredService<IWebHostEnvironment>().WebRootFileProvider, default);

    public IEnumerable<RouteEndpoint> Endpoints =>
        ((IEndpointRouteBuilder)_app).DataSources.SelectMany(d => d.Endpoints).OfType<RouteEndpoint>();

    public async Task InitializeAsync()
    {
        _table.Open();
        await _app.StartAsync();
        await _table.FirstLaidAsync();
    }

    internal Task<Answer> AskAsync(string method, string target, string? cookie, params string[] more) => SayAsync(
        $"{method} {target} HTTP/1.1\r\nHost: 127.0.0.1:{Port}\r\nConnection: close\r\n{(cookie is null ? "" : $"Cookie: {cookie}\r\n")}{string.Concat(more.Select(m => m + "\r\n"))}\r\n");

    internal Task<Answer> SendAsync(string target, string type, string body, string? cookie) =>
        SendAsync(target, type, Encoding.Latin1.GetBytes(body), cookie);

    internal Task<Answer> SendAsync(string target, string type, byte[] body, string? cookie) => SayAsync(
        $"POST {target} HTTP/1.1\r\nHost: 127.0.0.1:{Port}\r\nConnection: close\r\n{(cookie is null ? "" : $"Cookie: {cookie}\r\n")}{type}\r\nContent-Length: {body.Length}\r\n\r\n{Encoding.Latin1.GetString(body)}");

    /// <summary>Says it byte for byte, as no client library would, and takes what comes back.</summary>
    /// <param name="said">Each character is a byte.</param>
    /// <param name="isAll">Nothing more will ever be said: whoever waits for more waits in vain.</param>
    internal async Task<Answer> SayAsync(string said, bool isAll = false)
    {
        using var client = new TcpClient();
        await client.ConnectAsync(IPAddress.Loopback, Port);
        var stream = client.GetStream();
        using var got = new MemoryStream();
        byte[] block = new byte[8192];
        try
        {
            await stream.WriteAsync(Encoding.Latin1.GetBytes(said));
            if (isAll)
            {
                client.Client.Shutdown(SocketShutdown.Send);
            }

            for (int read = 1; read > 0 && !new Answer(Encoding.Latin1.GetString(got.ToArray())).IsWhole(said);)
            {
                read = await stream.ReadAsync(block);
                got.Write(block, 0, read);
            }
        }
        catch (Exception e) when (e is IOException or SocketException)
        {
            // It hung up before it had heard all.
        }

        return new Answer(Encoding.UTF8.GetString(got.ToArray()));
    }

    public async Task DisposeAsync()
    {
        await _app.DisposeAsync();
        _table.Dispose();
        _door.Dispose();
        _job.Dispose();
    }

    /// <summary>What came back, head and body.</summary>
    internal sealed record Answer(string Text)
    {
        /// <summary>0: it hung up without a word.</summary>
        public int Status =>
            Text.StartsWith("HTTP/1.1 ", StringComparison.Ordinal)
            ? int.Parse(Text.AsSpan(9, 3), System.Globalization.CultureInfo.InvariantCulture) : 0;

        /// <summary>Whether all of it is there; each character is a byte.</summary>
        public bool IsWhole(string asked)
        {
            int end = Text.IndexOf("\r\n\r\n", StringComparison.Ordinal) + 4;
            return end > 3 && (Status is 101 or 204 or 304 || asked.StartsWith("HEAD ", StringComparison.Ordinal)
                || (Of("Content-Length")
                    .FirstOrDefault() is { } length && Text.Length
                    - end >= int.Parse(length, System.Globalization.CultureInfo.InvariantCulture))
                || (Of("Transfer-Encoding").Contains("chunked") && Text.EndsWith("0\r\n\r\n", StringComparison.Ordinal)));
        }

        public IEnumerable<string> Of(string header) => Text.Split("\r\n\r\n")[0].Split("\r\n")
            .Where(l => l.StartsWith(header + ":", StringComparison.OrdinalIgnoreCase)).Select(l => l[(header.Length + 1)..].Trim());
    }
}
