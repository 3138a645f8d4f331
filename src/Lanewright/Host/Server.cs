using System.Reflection;

namespace Lanewright.Host;

/// <summary>The web server of the program: localhost only unless told otherwise.</summary>
internal static class Server
{
    /// <summary>What a page asks first, to know that it talks to Lanewright and not to a network's sign-in page.</summary>
    internal const string HelloPath = "/api/hello";

    internal static WebApplication Build(ServerOptions options)
    {
        var builder = WebApplication.CreateSlimBuilder(new WebApplicationOptions
        {
            ContentRootPath = AppContext.BaseDirectory,
            WebRootPath = Path.Combine(AppContext.BaseDirectory, "wwwroot"),
        });
        builder.Logging.SetMinimumLevel(LogLevel.Warning);
        builder.WebHost.ConfigureKestrel(kestrel => kestrel.ListenLocalhost(options.Port));
        var app = builder.Build();
        app.UseDefaultFiles();
        app.UseStaticFiles();
        app.MapGet(HelloPath, () => Results.Text(
            $$"""{"lanewright":1,"version":"{{Version}}"}""", "application/json"));
        return app;
    }

    /// <summary>The program's version.</summary>
    internal static string Version { get; } =
        typeof(Server).Assembly.GetCustomAttribute<AssemblyInformationalVersionAttribute>()?.InformationalVersion
            .Split('+')[0] ?? "0";
}

/// <summary>How to serve.</summary>
/// <param name="Port">Port on localhost.</param>
/// <param name="DataFolder">Where the records are kept.</param>
internal sealed record ServerOptions(int Port, string DataFolder);
