using System.Buffers.Text;
using System.Security.Cryptography;
using System.Text;

namespace Tautline.Server.Access;

/// <summary>Tokens that are shown once. They are random enough that a plain digest of them is enough to keep.</summary>
internal static class Secret
{
    private const int Bytes = 32;

    public static string Make() => Base64Url.EncodeToString(RandomNumberGenerator.GetBytes(Bytes));

    public static string Hash(string token) => Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(token)));
}
