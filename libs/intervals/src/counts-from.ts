/** From when use is counted: FAA and EASA text say from the deferral, Canadian text says with the next flight. */
export type CountsFrom = 'record' | 'deferral' | 'next-flight';
