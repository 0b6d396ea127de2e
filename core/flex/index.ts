export type { Profile } from './profile.ts';
