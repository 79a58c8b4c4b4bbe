// Neither package has types of its own.
declare module "simulated-annealing" {
  export default function simulatedAnnealing<S>(options: {
    readonly initialState: S;
    readonly tempMax: number;
    readonly tempMin: number;
    readonly newState: (of: S) => S;
    readonly getTemp: (temperature: number) => number;
    readonly getEnergy: (of: S) => number;
  }): S;
}

declare module "geneticalgorithm" {
  export default function geneticAlgorithm<P>(options: {
    readonly mutationFunction: (of: P) => P;
    readonly crossoverFunction: (a: P, b: P) => [P, P];
    readonly fitnessFunction: (of: P) => number;
    readonly population: P[];
    readonly populationSize: number;
  }): { evolve(): void };
}
