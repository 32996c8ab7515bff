export type { PromiseEffect, QueueEffect } from "#schemas/stored/index";
