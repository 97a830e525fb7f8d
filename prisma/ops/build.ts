/** `npm run build`: builds the pages for `npm start`, unless they are built already. */
import { buildIfNeeded } from './app-build';
import { StartRefusal } from './start-refusal';

try {
  const hasBuilt = await buildIfNeeded(console.log);
  console.log(hasBuilt ? 'The pages are built.' : 'The pages are up to date.');
} catch (error) {
  console.error(error instanceof StartRefusal ? error.message : error);
  process.exit(1);
}
