/** The few functions of psychrolib that the tests call; the package brings no types. */
declare module "psychrolib" {
  const library: {
    readonly SI: number;
    SetUnitSystem(system: number): void;
    GetHumRatioFromRelHum(celsius: number, humidity: number, pressure: number): number;
    GetMoistAirDensity(celsius: number, humidityRatio: number, pressure: number): number;
  };
  export default library;
}
