namespace Lanewright.Host;

/// <summary>The description of the API for machines (OpenAPI 3.1), as a file that is part of the program.</summary>
internal static class OpenApiDocument
{
    /// <summary>Its address; open to everybody, since it says nothing of the records.</summary>
    internal const string Path = "/api/openapi.json";

    internal static void Map(WebApplication app) =>
        app.MapGet(Path, () => Results.Stream(Open(), "application/json; charset=utf-8"));

    /// <summary>The file.</summary>
    internal static Stream Open() => typeof(OpenApiDocument).Assembly.GetManifestResourceStream("openapi.json")
        ?? throw new InvalidOperationException("The program was built without openapi.json.");
}
