// The size of a class set, apart from what makes one: who only asks for the number takes no tasks along.

/** Most copies of one set: more than any class, and still a stack that a printer takes. */
export const MOST_COPIES = 60;
