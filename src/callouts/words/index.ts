/** The languages whose words are known, English first. */
import { DE } from "./de.ts";
import { EN } from "./en.ts";
import { ES } from "./es.ts";
import { FR } from "./fr.ts";
import { IT } from "./it.ts";
import { JA } from "./ja.ts";

export const LANGUAGES = [EN, DE, FR, ES, IT, JA] as const;
