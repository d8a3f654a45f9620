using System.Buffers;
using System.Buffers.Text;
using System.Collections.Concurrent;
using System.Text;

namespace HealthNotes.LanguageHost;

/// <summary>Reads the base protocol's frames from a stream. A broken header ends them.</summary>
/// <param name="input">The stream; one thread reads it, byte by byte.</param>
/// <param name="fault">Called with the reason of an end that the client did not mean.</param>
internal sealed class FrameReader(Stream input, Action<string> fault)
{
    private const int LongestHeader = 4 * 1024;
    private const int LargestMessage = 512 * 1024 * 1024;
    private static readonly SearchValues<byte> NameCharacters = SearchValues.Create("ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-"u8);

    /// <summary>
    /// The body of the next message. Null at the end of input, and at the first line that is not a header: what follows it is
    /// another protocol's (a web page can send a request to any place), and no message may be found inside it.
    /// </summary>
    /// <exception cref="IOException">The input broke.</exception>
    public byte[]? Next()
    {
        int? length = null;
        while (true)
        {
            byte[]? line = ReadLine();
            if (line is null)
            {
                return null;
            }

            if (line.Length == 0 && length is { } known)
            {
                return Body(known);
            }

            if (!IsHeader(line, ref length))
            {
                fault("expected a header with its Content-Length; the session ends");
                return null;
            }
        }
    }

    /// <summary>A line without its break; null at the end of input. One that is longer than any header comes in part.</summary>
    private byte[]? ReadLine()
    {
        var line = new ArrayBufferWriter<byte>(64);
        while (line.WrittenCount <= LongestHeader)
        {
            int next = input.ReadByte();
            if (next < 0)
            {
                return null;
            }

            if (next == '\n')
            {
                break;
            }

            line.GetSpan(1)[0] = (byte)next;
            line.Advance(1);
        }

        return line.WrittenSpan.TrimEnd("\r"u8).ToArray();
    }

    private static bool IsHeader(ReadOnlySpan<byte> line, ref int? length)
    {
        int colon = line.IndexOf((byte)':');
        if (colon <= 0 || line.Length > LongestHeader || line[..colon].ContainsAnyExcept(NameCharacters))
        {
            return false;
        }

        if (!Ascii.EqualsIgnoreCase(line[..colon], "content-length"u8))
        {
            return true;
        }

        ReadOnlySpan<byte> number = line[(colon + 1)..].Trim(" \t"u8);
        bool good = Utf8Parser.TryParse(number, out int value, out int used) && used == number.Length && value is > 0 and <= LargestMessage && length is null;
        length = good ? value : null;
        return good;
    }

    private byte[]? Body(int length)
    {
        // read in pieces, so that a length that is not true takes no memory
        var body = new MemoryStream(Math.Min(length, 64 * 1024));
        byte[] piece = new byte[Math.Min(length, 64 * 1024)];
        while (body.Length < length)
        {
            int read = input.Read(piece, 0, (int)Math.Min(piece.Length, length - body.Length));
            if (read == 0)
            {
                fault("the client stopped in the middle of a message");
                return null;
            }

            body.Write(piece, 0, read);
        }

        return body.ToArray();
    }
}

/// <summary>
/// Writes frames to a stream, in the order they come. Whoever sends while nobody writes is the one who writes; the thread that reads
/// messages never is, since a client that reads nothing may still want to be heard.
/// </summary>
/// <param name="output">The stream; a message is some writes and a flush.</param>
/// <param name="fault">Called with the reason why a message was not sent.</param>
internal sealed class FrameWriter(Stream output, Action<string> fault)
{
    private readonly ConcurrentQueue<ReadOnlyMemory<byte>> waiting = new();
    private int busy;

    /// <summary>Sends the body of a message; it does not wait for the client, but where it is on the pool.</summary>
    public void Send(ReadOnlyMemory<byte> body)
    {
        waiting.Enqueue(body);
        if (Interlocked.Exchange(ref busy, 1) == 1)
        {
            return;
        }

        if (Thread.CurrentThread.IsThreadPoolThread)
        {
            WriteAll();
        }
        else
        {
            ThreadPool.UnsafeQueueUserWorkItem(_ => WriteAll(), null);
        }
    }

    /// <summary>Waits until everything is written; not longer than <paramref name="patience"/>.</summary>
    public void Flush(TimeSpan patience) => SpinWait.SpinUntil(() => Volatile.Read(ref busy) == 0, patience);

    private void WriteAll()
    {
        do
        {
            try
            {
                while (waiting.TryDequeue(out ReadOnlyMemory<byte> body))
                {
                    output.Write(Encoding.ASCII.GetBytes($"Content-Length: {body.Length}\r\n\r\n"));
                    output.Write(body.Span);
                    output.Flush();
                }
            }
            catch (Exception gone) when (gone is IOException or ObjectDisposedException)
            {
                fault($"a message was not sent: {gone.Message}");
            }

            Volatile.Write(ref busy, 0);
        }
        while (!waiting.IsEmpty && Interlocked.Exchange(ref busy, 1) == 0);
    }
}
