/** What a layer and a side strip are made of: fields of both tables, with what is accepted. */
export const MATERIAL_COLUMNS = [
  {
    field: 'youngsGPa',
    heading: 'flex.youngs',
    label: 'flex.youngsLabel',
    unit: 'GPa',
    min: 0.0001,
    max: 1000,
  },
  { field: 'shearGPa', heading: 'flex.shear', label: 'flex.shearLabel', unit: 'GPa', min: 0.0001, max: 500 },
  {
    field: 'densityGPerCm3',
    heading: 'flex.density',
    label: 'flex.densityLabel',
    unit: 'g/cm³',
    min: 0.01,
    max: 25,
  },
] as const;
