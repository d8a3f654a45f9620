using HealthNotes.LanguageServer.Protocol;

namespace HealthNotes.LanguageServer.Session;

/// <summary>Where the session stands between start and exit, and what may be asked there.</summary>
internal sealed class Lifecycle
{
    private readonly TaskCompletionSource<int> ended = new(TaskCreationOptions.RunContinuationsAsynchronously);
    private volatile Stage stage;

    private enum Stage
    {
        Started,
        Running,
        ShutDown,
    }

    /// <summary>Done when the session is over, with the exit code.</summary>
    public Task<int> Ended => ended.Task;

    /// <summary>True between <c>initialize</c> and <c>shutdown</c>: notifications outside of it are dropped.</summary>
    public bool IsRunning => stage == Stage.Running;

    /// <summary>3.17, Initialize Request: it may be sent once.</summary>
    /// <exception cref="RefusedRequestException">It was sent before.</exception>
    public void Initialize()
    {
        if (stage != Stage.Started)
        {
            throw new RefusedRequestException(ErrorCodes.InvalidRequest, "initialize was sent before");
        }

        stage = Stage.Running;
    }

    /// <summary>3.17, Shutdown Request.</summary>
    public void ShutDown()
    {
        RequireRunning();
        stage = Stage.ShutDown;
    }

    /// <summary>Refuses a request outside of the session.</summary>
    /// <exception cref="RefusedRequestException">The server is not initialized yet, or is shut down.</exception>
    public void RequireRunning()
    {
        switch (stage)
        {
            case Stage.Started:
                throw new RefusedRequestException(ErrorCodes.ServerNotInitialized, "initialize has not been sent yet");
            case Stage.ShutDown:
                throw new RefusedRequestException(ErrorCodes.InvalidRequest, "the server is shut down; only exit is expected now");
            default:
                return;
        }
    }

    /// <summary>3.17, Exit Notification, and every other end: 0 after <c>shutdown</c>, otherwise 1.</summary>
    public void End() => ended.TrySetResult(stage == Stage.ShutDown ? 0 : 1);

    /// <summary>An end that nobody asked for.</summary>
    public void Fail() => ended.TrySetResult(1);
}
