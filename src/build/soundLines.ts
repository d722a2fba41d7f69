// How the step that makes the sounds hands its words on, through what Astro's build says.

/** Lines of a build that begin so tell how the sounds were made. */
export const SAID = 'Listen: ';
/** And these what a person should look at. */
export const NOTED = 'Listen, note: ';
