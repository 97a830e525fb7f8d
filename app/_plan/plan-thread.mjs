// What the planner's thread starts with: a thread does not take over how its process reads TypeScript.
import { register } from 'tsx/esm/api';

register();
await import('./plan-worker.ts');
