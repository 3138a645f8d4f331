using System.CommandLine;
using Lanewright.Accounts;
using Lanewright.Core.Text;
using Lanewright.Office;
using Lanewright.Storage;

namespace Lanewright.Commands;

/// <summary><c>lanewright accounts</c>: what cannot be done on a page, because nobody can sign in.</summary>
internal static class AccountsCommand
{
    internal static Command Make() => new("accounts", "Accounts of people who sign in over the network.") { Pair() };

    private static Command Pair()
    {
        var data = RecordsOptions.Data();
        var database = RecordsOptions.Database();
        var command = new Command("pair", "Print a code that makes a supervisor, for a lost password; the server may be running.")
        {
            data, database,
        };
        command.SetAction((parsed, stop) => CommonOptions.LanguageOf(parsed, Language.English, parsed.InvocationConfiguration.Error) is not { } language
            ? Task.FromResult(CommonOptions.CouldNotRead)
            : RecordsOptions.WithStoreAsync(parsed, data, database, async store =>
        {
            OfficeLanguage.Speak(language);
            var code = await AccountsSetup.PairAgainAsync(store.Place, TimeProvider.System, stop);
            parsed.InvocationConfiguration.Output.WriteLine(
                $"{code}\n" + OfficeText.Say(
                    $"Open /pair on the server within {(int)PairingCodes.PrintedLife.TotalMinutes} minutes, type a name and this code, and set a password. "
                    + $"It works once and makes that person a supervisor; an account of that name gets the new password."));
            return CommonOptions.Answered;
        }, stop, Opening.Existing));
        return command;
    }
}
