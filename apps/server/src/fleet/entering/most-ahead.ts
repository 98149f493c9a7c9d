/** Most planned flights of one aircraft that are looked at together: half a year of six a day. */
export const MOST_AHEAD = 1000;
