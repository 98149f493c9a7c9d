import type { Role } from '#mel';

/** Who may take whole histories, with the names in them, out of the house. */
export const MAY_EXPORT: readonly Role[] = ['quality', 'engineer', 'maintenance-control', 'administrator'];
