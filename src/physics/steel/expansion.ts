/** Steel grows by this per kelvin. ASTM and AISC handbooks: 11.7e-6, 6.5e-6 per Fahrenheit (from memory). */
export const STEEL_EXPANSION = 11.7e-6;
