using Lanewright.Accounts.Pages;
using Lanewright.Host;
using Lanewright.Office;
using Lanewright.Storage;

namespace Lanewright.Accounts;

/// <summary>The supervisor's page of accounts. That only a supervisor gets here is <see cref="AccountsGate"/>'s doing.</summary>
internal static class AccountsOffice
{
    private const string Path = "/office/accounts";
    private const int Events = 200;

    internal static void Map(WebApplication app, EntryStore store)
    {
        var people = new OfficeData(store, TimeProvider.System);
        app.MapGet(Path, context => Show(context, people, []).Send(context));
        app.MapPost(Path + "/invite", context => Invite(context, people).Send(context));
        app.MapPost(Path + "/token", context => Token(context, people).Send(context));
        app.MapPost(Path + "/token/withdraw", context => Withdraw(context, people).Send(context));
        Change("/disable", (desk, form, by, address) => desk.DisableAsync(form["id"].ToString(), by, address));
        Change("/enable", (desk, form, by, address) => desk.EnableAsync(form["id"].ToString(), by, address));
        Change("/sign-out", (desk, form, by, address) => desk.SignOutEverywhereAsync(form["id"].ToString(), by, address));
        Change("/role", (desk, form, by, address) => desk.ChangeRoleAsync(form["id"].ToString(), form["role"].ToString(), by, address));

        void Change(string what, Func<AccountsDesk, IFormCollection, string, string?, Task<string?>> work) =>
            app.MapPost(Path + what, context => Changed(context, people, work).Send(context));
    }

    private static async Task<IResult> Changed(
        HttpContext context, OfficeData people, Func<AccountsDesk, IFormCollection, string, string?, Task<string?>> work)
    {
        if (await AccountPages.FormAsync(context) is not { } form) return AccountPages.NotOurs();
        var desk = context.RequestServices.GetRequiredService<AccountsDesk>();
        return await work(desk, form, Actors.Of(context)!.Person, AccountPages.AddressOf(context)) is { } wrong
            ? await Show(context, people, new() { ["Wrong"] = wrong })
            : Results.Redirect(Path);
    }

    private static async Task<IResult> Invite(HttpContext context, OfficeData people)
    {
        if (await AccountPages.FormAsync(context) is not { } form) return AccountPages.NotOurs();
        string person = form["person"].ToString().Trim(), role = form["role"].ToString();
        var typed = new Dictionary<string, object?> { ["Typed"] = person, ["TypedRole"] = role };
        if (person.Length is 0 or > AccountsDesk.LongestName || person.Any(char.IsControl) || !AccountsDesk.IsRole(role)
            || ApiTokens.LooksLike(person))
        {
            typed["Wrong"] = OfficeText.Say($"A name of 1 to {AccountsDesk.LongestName} characters, not ending in “{ApiTokens.Mark.Trim()}”, and a role were expected.");
            return await Show(context, people, typed);
        }

        var actor = Actors.Of(context)!;
        var services = context.RequestServices;
        var code = await services.GetRequiredService<PairingCodes>().MakeAsync(
            person, role, actor.Person, PairingCodes.InvitationLife, context.RequestAborted);
        await services.GetRequiredService<AccountLog>().AddAsync(
            person, $"invited as {role}", actor.Person, AccountPages.AddressOf(context));
        return await Show(context, people, new()
        {
            ["Code"] = code,
            ["Invited"] = person,
            ["InvitedRole"] = role,
            ["Address"] = $"{context.Request.Scheme}://{context.Request.Host}",
        });
    }

    private static async Task<IResult> Token(HttpContext context, OfficeData people)
    {
        if (await AccountPages.FormAsync(context) is not { } form) return AccountPages.NotOurs();
        string name = form["name"].ToString().Trim(), role = form["role"].ToString(), days = form["days"].ToString();
        var tokens = context.RequestServices.GetRequiredService<ApiTokens>();
        var typed = new Dictionary<string, object?> { ["TokenName"] = name, ["TokenRole"] = role, ["TokenDays"] = days };
        if (await tokens.FaultAsync(name, role, days, context.RequestAborted) is { } wrong)
        {
            typed["Wrong"] = wrong;
            return await Show(context, people, typed);
        }

        var made = await tokens.MakeAsync(
            name, role, int.Parse(days, System.Globalization.CultureInfo.InvariantCulture), Actors.Of(context)!.Person,
            AccountPages.AddressOf(context), context.RequestAborted);
        return await Show(context, people, new() { ["Made"] = made, ["Invited"] = name, ["InvitedRole"] = role });
    }

    private static async Task<IResult> Withdraw(HttpContext context, OfficeData people)
    {
        if (await AccountPages.FormAsync(context) is not { } form) return AccountPages.NotOurs();
        var wrong = await context.RequestServices.GetRequiredService<ApiTokens>().WithdrawAsync(
            form["id"].ToString(), Actors.Of(context)!.Person, AccountPages.AddressOf(context), context.RequestAborted);
        return wrong is null ? Results.Redirect(Path) : await Show(context, people, new() { ["Wrong"] = wrong });
    }

    private static async Task<IResult> Show(HttpContext context, OfficeData people, Dictionary<string, object?> parameters)
    {
        var services = context.RequestServices;
        var stop = context.RequestAborted;
        parameters["Token"] = AccountPages.Proof(context);
        parameters["Accounts"] = await services.GetRequiredService<AccountsDesk>().ListAsync(stop);
        parameters["Tokens"] = await services.GetRequiredService<ApiTokens>().ListAsync(stop);
        parameters["Log"] = await services.GetRequiredService<AccountLog>().LatestAsync(Events, stop);
        parameters["Now"] = services.GetRequiredService<TimeProvider>().GetUtcNow();
        var register = (await people.PeopleAsync(stop)).Where(person => !person.Retired)
            .GroupBy(person => person.Name, StringComparer.Ordinal)
            .ToDictionary(group => group.Key, group => Rights.Word(group.First().Role), StringComparer.Ordinal);
        parameters["Register"] = (IReadOnlyDictionary<string, string>)register;
        return AccountPages.Page<AccountsPage>(parameters.ContainsKey("Wrong") ? 422 : 200, parameters);
    }
}
