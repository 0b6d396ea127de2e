import sheetText from './ostrelle-squad.csv?raw';

/** The technician's sheet of the invented club Ostrelle. */
export const demoSheet = { name: 'ostrelle-squad.csv (demo)', text: sheetText } as const;
