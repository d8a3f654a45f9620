// The server as WebAssembly in a worker of an editor in a browser, which loads it as a classic script. Bundled to dist/wasm.
import { serve, type DotNet } from '../../../web/src/serve.js';

(globalThis as { dotnetSidecar?: boolean }).dotnetSidecar = true;
let found = (_: string): void => { /* the first message says where the rest of the server is */ };
const framework = new Promise<string>((resolve) => { found = resolve; });
const server = serve(async () => import(await framework) as Promise<DotNet>, { post: (json) => self.postMessage(JSON.parse(json)), today: () => '' });
self.onmessage = (event: MessageEvent<object>) => {
  const message = event.data;
  if ('framework' in message) {
    found(message.framework as string);
  } else {
    server.take('path' in message ? message as { path: string; bytes: Uint8Array } : JSON.stringify(message));
  }
};
// a worker that can't start says so
server.started.catch((problem: unknown) => setTimeout(() => { throw problem; }));
