namespace Tautline.Server.Hosting;

/// <summary>Refusals, as problem details with a code that a program can go by and words that a person can.</summary>
internal static class Refuse
{
    public static IResult With(int status, string code, string words, params (string Name, object Value)[] more)
    {
        Dictionary<string, object?> extra = new(StringComparer.Ordinal) { ["code"] = code };
        foreach (var (name, value) in more) extra[name] = value;
        return Results.Problem(words, statusCode: status, extensions: extra);
    }

    public static IResult NotThere(string what) => With(StatusCodes.Status404NotFound, "not-there", $"There is no such {what} here.");

    public static IResult Field(string field, string words) => With(StatusCodes.Status400BadRequest, "field", words, ("field", field));

    public static Task WriteAsync(HttpContext context, int status, string code, string words) => With(status, code, words).ExecuteAsync(context);
}
