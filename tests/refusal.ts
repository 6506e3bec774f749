/** What a person reads when a call is refused. */
import { TradeError } from "../src/errors.ts";
import { errors } from "../src/words/en/errors.ts";
import { errorText } from "../src/words/errors.ts";

/** The error that a call is refused with; anything else that it throws goes through. */
export function refused(call: () => unknown): TradeError {
  try {
    call();
  } catch (thrown) {
    if (thrown instanceof TradeError) return thrown;
    throw thrown;
  }
  throw new Error("nothing was refused");
}

/** Its sentence, in English. */
export const sentence = (error: TradeError): string => errorText(error, errors);

/** The sentence that a call is refused with. */
export const refusal = (call: () => unknown): string => sentence(refused(call));
