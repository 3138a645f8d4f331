using System.Reflection;
using Lanewright.Accounts;
using Lanewright.Network;
using Lanewright.Office;
using Lanewright.Storage;
using Microsoft.AspNetCore.Http.HttpResults;

namespace Lanewright.Host;

/// <summary>The web server of the program: localhost only unless told otherwise.</summary>
internal static class Server
{
    /// <summary>What a page asks first, to know that it talks to Lanewright and not to a network's sign-in page.</summary>
    internal const string HelloPath = "/api/hello";

    /// <summary>Header that carries the server's version on every answer of the API.</summary>
    internal const string VersionHeader = "x-lanewright";

    internal static WebApplication Build(ServerOptions options, EntryStore store)
    {
        var builder = WebApplication.CreateSlimBuilder(new WebApplicationOptions
        {
            ContentRootPath = AppContext.BaseDirectory,
            WebRootPath = options.WebRoot ?? Path.Combine(AppContext.BaseDirectory, "wwwroot"),
        });
        builder.Logging.SetMinimumLevel(LogLevel.Warning);
        // Refused requests are answered, and a broken connection is a phone that walked off: neither is the log's business.
        builder.Logging.AddFilter("Microsoft.AspNetCore", LogLevel.Error);
        // A server that cannot start says so itself, in words.
        builder.Logging.AddFilter("Microsoft.Extensions.Hosting", LogLevel.None);
        builder.WebHost.ConfigureKestrel(kestrel =>
        {
            kestrel.AddServerHeader = false;
            kestrel.Limits.MaxRequestBodySize = ApiBody.MostBytes;
            kestrel.Limits.RequestHeadersTimeout = TimeSpan.FromSeconds(15);
            if (options.Network is { } network) Listening.Configure(kestrel, options.Port, network);
            else if (options.Port == 0) kestrel.Listen(System.Net.IPAddress.Loopback, 0);
            else kestrel.ListenLocalhost(options.Port);
        });
        builder.Services.AddSingleton(options);
        OfficeServices.Add(builder.Services, store, options.Accounts == AccountsMode.Local);
        var accounts = options.Accounts is AccountsMode.Accounts;
        if (accounts) AccountsSetup.AddServices(builder, options, store);
        var app = builder.Build();
        IdleMemory.Use(app, store);
        app.Use(OfficeLanguage.Use);
        app.Use(Problems.Catch);
        if (options.Network is { } reached) Listening.UseProxy(app, reached);
        app.Use(RequestGuard.Check);
        app.Use(OfficeLanguage.Keep);
        StaticPages.Use(app);
        if (accounts) AccountsSetup.Use(app, store);
        app.MapGet(HelloPath, () => ApiJson.Answer(new Hello(1, Version), HostJson.Default.Hello));
        MeApi.Map(app);
        EntriesApi.Map(app, store);
        TestsApi.Map(app, store);
        EarlierTests.Map(app, store);
        RegisterApi.Map(app, store);
        PhotosApi.Map(app, store);
        ReportsApi.Map(app, store);
        OpenApiDocument.Map(app);
        OfficePages.Map(app, store);
        app.MapGet("/trust", () => new RazorComponentResult<Network.Pages.ReadyPage>());
        if (accounts) AccountsSetup.Map(app, store);
        app.MapFallback("/api/{**rest}", context => Problems.Answer(404, "There is nothing at this address.").ExecuteAsync(context));
        return app;
    }

    /// <summary>The program's version.</summary>
    internal static string Version { get; } =
        typeof(Server).Assembly.GetCustomAttribute<AssemblyInformationalVersionAttribute>()?.InformationalVersion
            .Split('+')[0] ?? "0";
}
