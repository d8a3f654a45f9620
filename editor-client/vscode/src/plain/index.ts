export * from './attention.js';
export * from './count.js';
export * from './due.js';
export * from './follow.js';
export * from './placing.js';
export * from './policy.js';
export * from './serverPlaces.js';
export * from './starter.js';
