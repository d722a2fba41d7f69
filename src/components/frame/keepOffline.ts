// Asks the browser to keep the teacher's rooms for times without a network.

/**
 * Registers the worker that the build has made below `base` (the site's path, with its last slash). Does nothing
 * where the browser has no workers or does not trust the address, where it is asked to save its owner's data, without a
 * network, and on a site that is only being worked on.
 */
export function keepOffline(base: string, isBuilt: boolean): void {
  const { connection } = navigator as Navigator & { connection?: { saveData?: boolean } };
  // A page that is opened without a network has nothing to fetch a worker from.
  if (!isBuilt || !navigator.onLine || connection?.saveData === true || !('serviceWorker' in navigator))
    return;
  const file = `${base.replace(/\/?$/, '/')}offline-worker.js`;
  // The page itself comes first; a site that cannot be kept still works with a network.
  const register = () =>
    void navigator.serviceWorker.register(file, { updateViaCache: 'none' }).catch((error: unknown) => {
      console.warn('The pages cannot be kept for times without a network.', error);
    });
  if (document.readyState === 'complete') register();
  else window.addEventListener('load', register, { once: true });
}
