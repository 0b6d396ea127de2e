/** How the page shows and reads quantities: the room `core/units`, under the name views know it by. */
export * from '../../core/units/index.ts';
