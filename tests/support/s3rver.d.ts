/** What the tests use of the storage server, which comes without types. */
declare module "@20minutes/s3rver" {
  interface Settings {
    readonly port: number;
    readonly address: string;
    readonly silent: boolean;
    readonly directory: string;
    readonly configureBuckets: readonly { readonly name: string }[];
  }
  export default class S3rver {
    constructor(settings: Settings);
    run(): Promise<{ readonly port: number }>;
    close(): Promise<void>;
  }
}
