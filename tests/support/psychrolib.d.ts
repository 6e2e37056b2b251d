// What the tests use of an open library of psychrometrics, which has no types of its own. In SI: °C, Pa, kg/kg, shares.
declare module 'psychrolib' {
  export const SI: number;
  export function SetUnitSystem(system: number): void;
  export function GetSatVapPres(temperatureC: number): number;
  export function GetVapPresFromRelHum(temperatureC: number, relativeHumidity: number): number;
  export function GetTDewPointFromRelHum(temperatureC: number, relativeHumidity: number): number;
  export function GetRelHumFromTDewPoint(temperatureC: number, dewPointC: number): number;
  export function GetHumRatioFromVapPres(vapourPressurePa: number, pressurePa: number): number;
  export function GetVapPresFromHumRatio(humidityRatio: number, pressurePa: number): number;
  export function GetMoistAirDensity(temperatureC: number, humidityRatio: number, pressurePa: number): number;
  export function GetStandardAtmPressure(altitudeM: number): number;
  export function GetStandardAtmTemperature(altitudeM: number): number;
}
