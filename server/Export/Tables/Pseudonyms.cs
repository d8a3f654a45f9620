using System.Security.Cryptography;
using System.Text;

namespace HealthNotes.Export.Tables;

/// <summary>
/// Replaces names by keyed hashes (HMAC-SHA256, the first 16 hexadecimal digits): the same name and key give the same pseudonym,
/// and nobody without the key can try names.
/// </summary>
/// <param name="key">The key; who has it can find a name again by trying.</param>
public sealed class Pseudonyms(string key)
{
    /// <summary>The fewest characters of a key: a shorter one can be guessed.</summary>
    public const int ShortestKey = 16;

    private const int Digits = 16;
    private readonly byte[] secret = Encoding.UTF8.GetBytes(key);

    /// <summary>Hashes without a secret, for ids.</summary>
    internal static Pseudonyms None { get; } = new("");

    /// <summary>The pseudonym of a name.</summary>
    public string Of(string name) => Convert.ToHexStringLower(HMACSHA256.HashData(secret, Encoding.UTF8.GetBytes(name.Trim())))[..Digits];
}
