using Tautline.Server.Access;
using Tautline.Server.Accounts;
using Tautline.Store.Rows;

namespace Tautline.Server.Import;

internal sealed record ListedPerson(string Name, string Email, Role Role);

/// <summary>People to invite, as they stood in another table.</summary>
internal static class PeopleList
{
    private static readonly Dictionary<string, string[]> columns = new(StringComparer.Ordinal)
    {
        ["name"] = ["person", "employee", "fullname"],
        ["email"] = ["mail", "emailaddress"],
        ["role"] = ["position", "job", "title"],
    };

    public static (IReadOnlyList<ListedPerson> People, IReadOnlyList<ImportLine> Lines) Read(byte[] file)
    {
        List<ImportLine> lines = [];
        List<ListedPerson> people = [];
        Dictionary<string, int> seen = new(StringComparer.OrdinalIgnoreCase);
        foreach (var row in CsvRows.Read(file, columns, "email", lines))
        {
            var before = lines.Count;
            var email = Fields.Email(row["email"]);
            if (email is null) lines.Add(new(row.Line, row.Heading("email"), $"An e-mail address looks like name@example.com, here '{row["email"]}'."));
            else if (!seen.TryAdd(email, row.Line)) lines.Add(new(row.Line, row.Heading("email"), $"'{email}' is in line {seen[email]} already."));
            var role = row["role"].Length == 0 ? Role.Crew : Roles.Of(row["role"].ToLowerInvariant());
            if (role is null) lines.Add(new(row.Line, row.Heading("role"), $"'{row["role"]}' is no role: write {Roles.Words}, or leave it empty for crew."));
            if (lines.Count == before) people.Add(new(row["name"], email!, role!.Value));
        }
        return (people, lines);
    }
}
