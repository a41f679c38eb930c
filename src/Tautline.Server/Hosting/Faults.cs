using System.Data.Common;
using Microsoft.AspNetCore.Diagnostics;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;
using Npgsql;

namespace Tautline.Server.Hosting;

/// <summary>What goes wrong in a request ends in words, never in a stack trace. What the caller may simply try again says so.</summary>
internal sealed partial class Faults(ILogger<Faults> log) : IExceptionHandler
{
    private const int SqliteFull = 13;
    // A write the system refused, by a quota or a limit or because the disk is going: SQLite has one number for all of them.
    private const int SqliteInputOutput = 10;
    private const int NoSpace = 28;
    private const int SqliteTooBig = 18;

    public async ValueTask<bool> TryHandleAsync(HttpContext context, Exception fault, CancellationToken cancel)
    {
        if (context.RequestAborted.IsCancellationRequested) return true;
        switch (Root(fault))
        {
            case BadHttpRequestException { StatusCode: StatusCodes.Status413PayloadTooLarge }:
                await Refuse.WriteAsync(context, 413, "too-large", "What was sent is larger than is taken here.");
                return true;
            case BadHttpRequestException slip:
                await Refuse.WriteAsync(context, slip.StatusCode, "malformed", "What was sent is not what belongs here: a body of JSON as the description of this address has it.");
                return true;
            case InvalidDataException:
                await Refuse.WriteAsync(context, 400, "malformed", "What was sent cannot be unpacked.");
                return true;
            case SqliteException { SqliteErrorCode: SqliteFull or SqliteInputOutput }:
            case PostgresException { SqlState: PostgresErrorCodes.DiskFull }:
            case IOException { HResult: NoSpace }:
                LogStore(log, fault.GetType().Name);
                await Refuse.WriteAsync(context, 507, "full", "The server's disk is full or takes nothing more: nothing was taken. Keep what you have and try again later.");
                return true;
            case PostgresException { SqlState: PostgresErrorCodes.CharacterNotInRepertoire or PostgresErrorCodes.UntranslatableCharacter }:
                await Refuse.WriteAsync(context, 400, "malformed", "A text has a character that cannot be kept: the one with the number 0.");
                return true;
            case SqliteException { SqliteErrorCode: SqliteTooBig }:
                await Refuse.WriteAsync(context, 413, "too-large", "What was sent is larger than is taken here.");
                return true;
            case DbException or DbUpdateException or TimeoutException:
                LogStore(log, fault.GetType().Name);
                context.Response.Headers.RetryAfter = "5";
                await Refuse.WriteAsync(context, 503, "store", "The store does not answer. Nothing is lost: what was not answered can be sent again.");
                return true;
            default:
                LogFault(log, fault);
                await Refuse.WriteAsync(context, 500, "fault", "Something went wrong that should not. It was written down; try again.");
                return true;
        }
    }

    private static Exception Root(Exception fault) => fault switch
    {
        DbUpdateException { InnerException: DbException inner } => inner,
        InvalidOperationException { InnerException: DbException inner } => inner,
        _ => fault,
    };

    [LoggerMessage(Level = LogLevel.Error, Message = "The store did not take or give what was asked: {Kind}")]
    private static partial void LogStore(ILogger log, string kind);

    [LoggerMessage(Level = LogLevel.Error, Message = "A request failed")]
    private static partial void LogFault(ILogger log, Exception fault);
}
