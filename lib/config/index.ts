export {
  type Config,
  config,
  type DatabaseSettings,
  isBuilding,
  isDevelopment,
  type LogLevel,
  type MailSettings,
  parseConfig,
} from "./config";
export { houseDigest, houseKey } from "./house-key";
export type { PictureSettings } from "./picture-settings";
