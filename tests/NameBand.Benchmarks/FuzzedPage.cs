using System.Globalization;
using System.Net;
using System.Net.Sockets;
using System.Text;
using Microsoft.AspNetCore.Hosting;
using Microsoft.Extensions.DependencyInjection;
using NameBand.Tests.Hostile;
using NameBand.Web.Machine;
using NameBand.Web.Serving;
using NameBand.Web.Table;

namespace NameBand.Benchmarks;

/// <summary>The page of a small job and its server for screens at the machine, in this process, to be asked senseless things.</summary>
internal sealed class FuzzedPage
{
    private readonly int _port;
    private readonly PageKey _key = PageKey.New();
    private readonly LendDesk _desk;
    private readonly string? _token;

    public FuzzedPage(string folder)
    {
        File.WriteAllText(Path.Combine(folder, "job.json"), """{ "format": 1, "lists": ["names.csv"], "hem": { "length": "1.2 m" } }""");
        File.WriteAllText(Path.Combine(folder, "names.csv"), "name\nOttilie Marsh\n");
        var table = new Worktable(folder);
        var door = PageServer.Listen(0);
        _port = ((IPEndPoint)door.LocalEndPoint!).Port;
        var options = new PageOptions(folder, 0, true);
        var app = PageServer.Build(door, table, _key, options);
        table.Open();
        app.StartAsync().GetAwaiter().GetResult();
        table.FirstLaidAsync().GetAwaiter().GetResult();
        _desk = app.Services.GetRequiredService<LendDesk>();
        var files = app.Services.GetRequiredService<IWebHostEnvironment>().WebRootFileProvider;
        _ = LendServer.StartAsync(options, table, _desk, files, default).GetAwaiter().GetResult();
        _token = _desk.Exchange(_desk.Code!, "");
    }

    public HostileKind Kind => new(HostileRequest.Kind, HostileRequest.Seeds, Ask);

    private Fate Ask(byte[] input)
    {
        var request = HostileRequest.Of(input);
        string host = $"127.0.0.1:{_port}";
        string cookie = $"{PageKey.CookieName(_port)}={_key.Cookie}";
        if (request.IsToLent)
        {
            _desk.MakeCode();
            host = new Uri(_desk.Url!).Authority;
            cookie = $"nameband-lent={_token}";
        }

        string? fault = HostileRequest.Fault(Say(host, request.Said(host, cookie)));
        return fault is null ? new Fate(true, []) : throw new InvalidOperationException(fault);
    }

    private static int Say(string host, string said)
    {
        using var client = new TcpClient { ReceiveTimeout = 10_000 };
        client.Connect(IPEndPoint.Parse(host));
        var stream = client.GetStream();
        byte[] head = new byte[12];
        try
        {
            stream.Write(Encoding.Latin1.GetBytes(said));
            int got = stream.ReadAtLeast(head, head.Length, throwOnEndOfStream: false);
            return got == head.Length ? int.Parse(Encoding.Latin1.GetString(head, 9, 3), CultureInfo.InvariantCulture) : 0;
        }
        catch (IOException)
        {
            return 0;
        }
    }
}
