// Keeps the program's own files, so that it starts without a network. It never sees a note: notes are in no request.
declare const self: ServiceWorkerGlobalScope;
declare const FILES: readonly string[];
declare const VERSION: string;
const name = `hnote-${VERSION}`;

self.addEventListener('install', (event) => event.waitUntil((async () => {
  const cache = await caches.open(name);
  await cache.addAll(FILES.map((file) => new Request(file, { cache: 'reload' })));
  await self.skipWaiting();
})()));

self.addEventListener('activate', (event) => event.waitUntil((async () => {
  await Promise.all((await caches.keys()).filter((key) => key.startsWith('hnote-') && key !== name).map((key) => caches.delete(key)));
  await self.clients.claim();
})()));

self.addEventListener('fetch', (event) => {
  if (event.request.method === 'GET') {
    event.respondWith((async () => (await (await caches.open(name)).match(event.request, { ignoreSearch: true })) ?? fetch(event.request))());
  }
});
export {};
