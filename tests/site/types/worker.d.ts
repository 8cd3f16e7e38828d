// What the service worker finds beside the compiler's own library, which knows a worker of any kind: the list of files that
// build.py puts in, Workbox, and what only a service worker has.
declare const FILES: { url: string; revision: string | null }[];
declare const workbox: any;
declare const registration: ServiceWorkerRegistration;

interface WorkerGlobalScope {
  readonly clients: Clients;
  skipWaiting(): Promise<void>;
  addEventListener<K extends keyof ServiceWorkerGlobalScopeEventMap>(type: K, listener: (event: ServiceWorkerGlobalScopeEventMap[K]) => void): void;
}
