using System.Net;
using Tautline.Store;

namespace Tautline.Server.Hosting;

/// <summary>How the program was asked to run: from the command line, the environment ('TAUTLINE_STORE') or a settings file, under the same names.</summary>
/// <param name="Accounts">False: for whoever sits at this machine. True: people sign in.</param>
/// <param name="Store">Path of an SQLite file, or a PostgreSQL connection string.</param>
/// <param name="SignUp">'first': who comes first makes the one company; 'open': anybody makes one; 'closed'.</param>
/// <param name="Domain">The name of the address that passkeys are made for; nothing where it is that of each request.</param>
/// <param name="Requests">Requests a device, or an address that has not signed in, may make in a minute.</param>
/// <param name="SignIns">Tries to sign in, sign up or join from one address in a minute.</param>
public sealed record ServerSettings(bool Accounts, StorePlace Store, string SignUp, string? Domain, int Requests, int SignIns)
{
    public const string Own = "own";
    public const string WithAccounts = "accounts";

    public string Mode => Accounts ? WithAccounts : Own;

    /// <exception cref="SettingsException">Something that was asked cannot be.</exception>
    public static ServerSettings Of(IConfiguration asked)
    {
        var accounts = Flag(asked, "accounts");
        var signUp = asked["sign-up"] ?? "first";
        if (signUp is not ("first" or "open" or "closed")) throw new SettingsException($"--sign-up cannot be '{signUp}'", "Write first, open or closed.");
        foreach (var address in (asked["urls"] ?? "").Split(';', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries))
            if (!accounts && !IsLoopback(address)) throw new SettingsException($"Without accounts the program only listens on this machine, and '{address}' can be reached from others", "Add --accounts true, so that people sign in, or listen on http://localhost.");
        return new(accounts, StorePlace.Of(asked["store"] is { Length: > 0 } store ? store : UsualStore()), signUp, asked["domain"], Whole(asked, "requests", 1200), Whole(asked, "sign-ins", 20));
    }

    private static bool Flag(IConfiguration asked, string name) => asked[name] switch
    {
        null => false,
        { } text when bool.TryParse(text, out var flag) => flag,
        { } text => throw new SettingsException($"--{name} cannot be '{text}'", "Write true or false."),
    };

    private static int Whole(IConfiguration asked, string name, int usual) => asked[name] switch
    {
        null => usual,
        { } text when int.TryParse(text, System.Globalization.CultureInfo.InvariantCulture, out var number) && number > 0 => number,
        { } text => throw new SettingsException($"--{name} cannot be '{text}'", "Write a whole number above 0."),
    };

    private static bool IsLoopback(string address)
        => Uri.TryCreate(address, UriKind.Absolute, out var uri) && (uri.Host == "localhost" || (IPAddress.TryParse(uri.Host.Trim('[', ']'), out var ip) && IPAddress.IsLoopback(ip)));

    private static string UsualStore() => Path.Combine(Environment.GetFolderPath(Environment.SpecialFolder.LocalApplicationData, Environment.SpecialFolderOption.Create), "Tautline", "tautline.db");
}

/// <summary>Something that was asked at the start and cannot be.</summary>
public sealed class SettingsException(string message, string hint) : Exception(message)
{
    public string Hint { get; } = hint;
}
