/** A stiffness along the ski: x in metres from the rear contact point → EI or GJ in N·m² (always > 0). */
export type Profile = (x: number) => number;
