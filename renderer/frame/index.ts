/** Rail, bar, foot and keys around the views, and how the program begins. */
export { Frame } from './frame.tsx';
export { startApp } from './start.ts';
