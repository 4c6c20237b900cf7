/** What was read from the shop lies in this browser under this name. */
export const READ_CACHE = "gritwright-read";
