using Lanewright.Core.Register;
using Lanewright.Host;
using Lanewright.Storage;
using Lanewright.Storage.Database;
using Microsoft.AspNetCore.Authentication;
using Microsoft.AspNetCore.DataProtection;
using Microsoft.AspNetCore.Identity;
using Microsoft.EntityFrameworkCore;

namespace Lanewright.Accounts;

/// <summary>Puts the accounts into a server. Only called where people have accounts: nobody else loads any of this.</summary>
internal static class AccountsSetup
{
    /// <summary>Name of the way people are known by: the session's cookie.</summary>
    internal const string Scheme = "lanewright";

    private static readonly TimeSpan SessionLife = TimeSpan.FromDays(30);

    internal static void AddServices(WebApplicationBuilder builder, ServerOptions options, EntryStore store)
    {
        var services = builder.Services;
        services.AddSingleton(options.Clock);
        services.AddScoped(_ => AccountsContext.At(store.Place));
        services.AddIdentityCore<Account>(identity =>
        {
            // Any name that the register takes; its length and the password are checked where they come in.
            identity.User.AllowedUserNameCharacters = "";
        }).AddEntityFrameworkStores<AccountsContext>();
        services.Configure<PasswordHasherOptions>(hasher => hasher.IterationCount = options.Limits.HashIterations);
        services.AddScoped<AccountLog>().AddScoped<PairingCodes>().AddScoped<SignIns>().AddScoped<AccountsDesk>().AddScoped<ApiTokens>();
        services.AddAuthentication(Scheme).AddScheme<AuthenticationSchemeOptions, TokenSignIn>(TokenSignIn.Way, null).AddCookie(Scheme, cookie =>
        {
            cookie.ForwardDefaultSelector = context => TokenSignIn.Comes(context) ? TokenSignIn.Way : null;
            cookie.Cookie.Name = "__Host-lanewright";
            cookie.Cookie.SecurePolicy = CookieSecurePolicy.Always;
            cookie.Cookie.HttpOnly = true;
            cookie.Cookie.SameSite = SameSiteMode.Strict;
            cookie.ExpireTimeSpan = SessionLife;
            cookie.SlidingExpiration = true;
            cookie.Events.OnValidatePrincipal = ValidateAsync;
        });
        services.AddAntiforgery(form =>
        {
            form.Cookie.Name = "__Host-lanewright-form";
            form.Cookie.SecurePolicy = CookieSecurePolicy.Always;
            form.Cookie.HttpOnly = true;
            form.Cookie.SameSite = SameSiteMode.Strict;
        });
        var keys = services.AddDataProtection().SetApplicationName("lanewright");
        if (options.KeyFolder is { } folder) keys.PersistKeysToFileSystem(Network.OwnerFiles.Folder(folder));
        else keys.UseEphemeralDataProtectionProvider();
        SendingLimits.Add(services, options.Limits);
    }

    /// <summary>Asks about sessions from here on; files of the pages are answered before.</summary>
    internal static void Use(WebApplication app, EntryStore store)
    {
        app.Use(async (context, next) =>
        {
            try
            {
                await next(context);
            }
            catch (Exception wrong) when (wrong is not RecordsException && SharedDatabase.Fault(wrong, store.Place) is not null)
            {
                throw SharedDatabase.Fault(wrong, store.Place)!;
            }
        });
        app.UseRateLimiter();
        app.UseAuthentication();
        app.Use(AccountsGate.Check);
    }

    internal static void Map(WebApplication app, EntryStore store)
    {
        AccountPages.Map(app);
        AccountsOffice.Map(app, store);
    }

    /// <summary>Makes or updates the tables; gives a code for the first supervisor while there is no account, else null.</summary>
    internal static async Task<string?> PrepareAsync(RecordsPlace place, TimeProvider clock, CancellationToken stop)
    {
        await using var data = AccountsContext.At(place);
        await SharedDatabase.PrepareAsync(data, place, stop);
        return await data.Users.AnyAsync(stop) ? null : await SupervisorCodeAsync(data, clock, stop);
    }

    /// <summary>A new code that makes whoever types it a supervisor, for a lost password; it is written down.</summary>
    internal static async Task<string> PairAgainAsync(RecordsPlace place, TimeProvider clock, CancellationToken stop)
    {
        await using var data = AccountsContext.At(place);
        await SharedDatabase.PrepareAsync(data, place, stop);
        await new AccountLog(data, clock).AddAsync("", "a code for a supervisor was printed");
        return await SupervisorCodeAsync(data, clock, stop);
    }

    private static Task<string> SupervisorCodeAsync(AccountsContext data, TimeProvider clock, CancellationToken stop) =>
        new PairingCodes(data, clock).MakeAsync(null, Rights.Word(PersonRole.Supervisor), null, PairingCodes.PrintedLife, stop);

    // On every request: whoever is disabled or signed out everywhere is out at once, and a changed role holds at once.
    private static async Task ValidateAsync(Microsoft.AspNetCore.Authentication.Cookies.CookieValidatePrincipalContext context)
    {
        var data = context.HttpContext.RequestServices.GetRequiredService<AccountsContext>();
        if (await SignIns.CurrentAsync(data, context.Principal, context.HttpContext.RequestAborted) is { } account)
        {
            context.ReplacePrincipal(SignIns.Principal(account));
            return;
        }

        context.RejectPrincipal();
        await context.HttpContext.SignOutAsync(Scheme);
    }
}
