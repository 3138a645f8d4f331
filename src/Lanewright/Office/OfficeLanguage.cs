using Lanewright.Core.Text;
using Lanewright.Host;

namespace Lanewright.Office;

/// <summary>
/// In which language a request is answered: the one asked for by <c>?language=</c>, which a cookie keeps; then that of the
/// cookie; then the browser's own; then the server's. Numbers have the decimal mark of the language, except in what
/// programs and spreadsheets read, where they are written alike in all of them. A paper is for people whoever asks for it.
/// </summary>
internal static class OfficeLanguage
{
    /// <summary>Keeps the choice in this browser.</summary>
    internal const string Cookie = "lanewright-language";

    /// <summary>What the yard's pages, which keep a choice of their own, send with a request.</summary>
    internal const string Header = "x-lanewright-language";

    /// <summary>The choice in an address.</summary>
    internal const string Parameter = "language";

    /// <summary>Numbers for programs and spreadsheets, and in the yard's own files.</summary>
    private static readonly TextCulture Plain = TextCulture.UnitedStates;

    private static readonly AsyncLocal<TextCulture?> OfRequest = new();

    /// <summary>Language and numbers of the request that is being answered, or of the command; English outside of both.</summary>
    internal static TextCulture Current => OfRequest.Value ?? Plain;

    /// <summary>Language and numbers of a request.</summary>
    internal static TextCulture Of(HttpContext context)
    {
        var language = LanguageOf(context);
        var path = context.Request.Path;
        return Path.GetExtension(path.Value) switch
        {
            ".csv" => Files(language),
            ".pdf" or ".xml" => Of(language),
            _ => path.StartsWithSegments("/api") ? Files(language) : Of(language),
        };
    }

    /// <summary>A language with the numbers of those who read it.</summary>
    internal static TextCulture Of(Language language) => language.Code switch
    {
        "fr" => TextCulture.French,
        "fi" => TextCulture.Finnish,
        _ => Plain.In(language),
    };

    /// <summary>A language with the numbers of files: those of the yard's own tables, and of what programs read.</summary>
    internal static TextCulture Files(Language language) => Plain.In(language);

    /// <summary>Lets what a command says from here on be in a language.</summary>
    internal static void Speak(Language language) => OfRequest.Value = Files(language);

    /// <summary>Lets everything that answers the request speak its language.</summary>
    internal static async Task Use(HttpContext context, RequestDelegate next)
    {
        OfRequest.Value = Of(context);
        await next(context);
    }

    /// <summary>Keeps a choice made in the address of a page, and opens the page by its plain address.</summary>
    internal static async Task Keep(HttpContext context, RequestDelegate next)
    {
        var request = context.Request;
        if (!HttpMethods.IsGet(request.Method) || request.Path.StartsWithSegments("/api")
            || !Language.TryFind(request.Query[Parameter], out var chosen))
        {
            await next(context);
            return;
        }

        context.Response.Cookies.Append(Cookie, chosen.Code, new()
        {
            HttpOnly = true,
            SameSite = SameSiteMode.Lax,
            Secure = request.IsHttps,
            Path = "/",
            MaxAge = TimeSpan.FromDays(365),
        });
        context.Response.Redirect(Address(request, null));
    }

    /// <summary>The address of a request with another choice of language, or without one.</summary>
    internal static string Address(HttpRequest request, Language? language)
    {
        var query = QueryString.Create(request.Query.Where(one => one.Key != Parameter));
        if (language is not null) query = query.Add(Parameter, language.Code);
        // Two bars would lead a browser to another server.
        return "/" + request.Path.ToUriComponent().TrimStart('/') + query;
    }

    private static Language LanguageOf(HttpContext context)
    {
        var request = context.Request;
        if (Language.TryFind(request.Query[Parameter], out var language) || Language.TryFind(request.Headers[Header], out language)
            || Language.TryFind(request.Cookies[Cookie], out language))
            return language;
        // The browser's wishes, the dearest first (RFC 9110, 12.5.4); what is not to be had is passed over.
        foreach (var wish in request.GetTypedHeaders().AcceptLanguage.OrderByDescending(one => one.Quality ?? 1))
            if (wish.Quality != 0 && Language.TryFind(wish.Value.Value, out language)) return language;
        return context.RequestServices.GetRequiredService<ServerOptions>().Language;
    }
}
