import type { PersonRole } from './request.ts';

/** Who works in the kitchen: may log, plan and buy. */
export const KITCHEN_ROLES: readonly PersonRole[] = ['staff', 'intern'];

/** Everybody who belongs to the team. */
export const TEAM_ROLES: readonly PersonRole[] = ['staff', 'intern', 'athlete'];

/** Also people from outside the team: a guest in a shared channel. */
export const ALL_ROLES: readonly PersonRole[] = ['staff', 'intern', 'athlete', 'guest'];
