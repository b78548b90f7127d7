/** Why a server did not start; the message is one sentence that says what to do. */
export class StartFailure extends Error {}
