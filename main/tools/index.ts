/** What `npm start` and `npm run package` do before anything runs; tests use the same build. */
export { builtMain, builtPage, ensureBuilt, noticesFile, projectRoot } from './build.ts';
