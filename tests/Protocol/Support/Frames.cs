using System.Globalization;
using System.Text;

namespace HealthNotes.Protocol.Tests.Support;

/// <summary>Reads frames as the base protocol writes them (3.17, Base Protocol, Header Part), and puts up with nothing else.</summary>
internal sealed class FrameReader(Stream stream)
{
    private readonly byte[] buffer = new byte[64 * 1024];
    private int start;
    private int end;

    /// <summary>The bytes of a message in its frame.</summary>
    public static byte[] Frame(string json)
    {
        byte[] body = Encoding.UTF8.GetBytes(json);
        return [.. Encoding.ASCII.GetBytes($"Content-Length: {body.Length}\r\n\r\n"), .. body];
    }

    /// <summary>The next message; null where the stream ends between two.</summary>
    /// <exception cref="InvalidDataException">It is not a frame.</exception>
    public async Task<string?> ReadAsync()
    {
        int? length = null;
        while (true)
        {
            string? line = await ReadLineAsync();
            if (line is null)
            {
                return length is null ? null : throw new InvalidDataException("the output ends in a header");
            }

            if (line.Length == 0)
            {
                return await ReadBodyAsync(length ?? throw new InvalidDataException("a header without its length"));
            }

            string[] field = line.Split(": ", 2);
            length = field switch
            {
                ["Content-Length", var number] => int.Parse(number, NumberStyles.None, CultureInfo.InvariantCulture),
                ["Content-Type", "application/vscode-jsonrpc; charset=utf-8"] => length,
                _ => throw new InvalidDataException($"this is not the protocol: {line}"),
            };
        }
    }

    private async Task<string?> ReadLineAsync()
    {
        var line = new StringBuilder();
        while (await MoreAsync())
        {
            char c = (char)buffer[start++];
            line.Append(c);
            if (c == '\n')
            {
                return line.Length >= 2 && line[^2] == '\r' ? line.ToString(0, line.Length - 2) : throw new InvalidDataException($"this is not the protocol: {line}");
            }
        }

        return line.Length == 0 ? null : throw new InvalidDataException($"this is not the protocol: {line}");
    }

    private async Task<string> ReadBodyAsync(int length)
    {
        byte[] body = new byte[length];
        for (int at = 0; at < length;)
        {
            if (!await MoreAsync())
            {
                throw new InvalidDataException("the output ends in a message");
            }

            int taken = Math.Min(length - at, end - start);
            buffer.AsSpan(start, taken).CopyTo(body.AsSpan(at));
            start += taken;
            at += taken;
        }

        return new UTF8Encoding(false, throwOnInvalidBytes: true).GetString(body);
    }

    private async ValueTask<bool> MoreAsync()
    {
        if (start == end)
        {
            start = 0;
            end = await stream.ReadAsync(buffer);
        }

        return end > start;
    }
}
