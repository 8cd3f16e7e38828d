// What the service worker finds beside the compiler's own library, which knows a worker of any kind: the release that build.py
// puts in, and what only a service worker has.
declare const RELEASE: {
  version: string; date: string; languages: string[]; types: Record<string, string>; headers: Record<string, string>;
  files: [string, string, number, string | null, number?][]; packs: [string, string, number][];
};
declare const registration: ServiceWorkerRegistration;

interface WorkerGlobalScope {
  readonly clients: Clients;
  skipWaiting(): Promise<void>;
  addEventListener<K extends keyof ServiceWorkerGlobalScopeEventMap>(type: K, listener: (event: ServiceWorkerGlobalScopeEventMap[K]) => void): void;
}
