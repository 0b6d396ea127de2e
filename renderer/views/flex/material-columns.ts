/** What a layer and a side strip are made of: fields of both tables, with what is accepted. */
export const MATERIAL_COLUMNS = [
  { field: 'youngsGPa', heading: 'E, GPa', label: "Young's modulus E", unit: 'GPa', min: 0.0001, max: 1000 },
  { field: 'shearGPa', heading: 'G, GPa', label: 'Shear modulus G', unit: 'GPa', min: 0.0001, max: 500 },
  { field: 'densityGPerCm3', heading: 'Density, g/cm³', label: 'Density', unit: 'g/cm³', min: 0.01, max: 25 },
] as const;
