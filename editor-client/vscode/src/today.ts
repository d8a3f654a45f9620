import { todayOf } from './plain/starter.js';

/** Today, as notes write it. */
export const today = (): string => todayOf(new Date(), process.env.HNOTE_TODAY);
