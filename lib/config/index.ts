export { type Config, config, type DatabaseSettings, isBuilding, isDevelopment, parseConfig } from "./config";
