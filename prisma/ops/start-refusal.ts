/**
 * An honest no before the app listens: what is in the way and what to do, in plain sentences for whoever typed
 * `npm start`. Nothing was changed. Everything else that is thrown is a fault of ours and shows its trace.
 */
export class StartRefusal extends Error {
  override readonly name = 'StartRefusal';
}
