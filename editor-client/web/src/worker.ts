// The language server in a worker of its own.
import { serve, type DotNet, type ToServer } from './serve.js';

// Without this name the runtime takes a worker for one of its own threads, and waits for its main one.
(globalThis as { dotnetSidecar?: boolean }).dotnetSidecar = true;
// @ts-ignore: made by the publish of the worker project
const server = serve(() => import('./_framework/dotnet.js') as Promise<DotNet>, { post: (json) => self.postMessage(json), today: () => self.name });
self.onmessage = (event: MessageEvent<ToServer>) => server.take(event.data);
await server.started;
