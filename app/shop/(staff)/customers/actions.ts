"use server";
import { revalidatePath } from "next/cache";
import { redirect } from "next/navigation";
import { idField } from "#app/_server/fields.ts";
import { formAction } from "#app/_server/form-action.ts";
import { staffContext } from "#app/_server/request.ts";
import { say } from "#app/shop/say.ts";
import { correctContactSchema, erasePersonSchema, mergeCustomersSchema } from "#schemas";
import { idOf } from "#schemas/ids";
import { correctCustomer, erasePerson, mergeCustomers } from "#services";

const customerId = idField.transform((id) => idOf("customer", id));

export const merge = formAction({
  name: "make two customers one",
  schema: mergeCustomersSchema.extend({ from: customerId, into: customerId }),
  context: () => staffContext("/shop/customers"),
  run: mergeCustomers,
  words: say,
  done: ({ into }) => redirect(`/shop/customers/${into}`),
});

export const correct = formAction({
  name: "correct a customer",
  schema: correctContactSchema.extend({ customerId }),
  context: () => staffContext("/shop/customers"),
  run: correctCustomer,
  words: say,
  done: (_corrected, input) => revalidatePath(`/shop/customers/${input.customerId}`),
});

export const erase = formAction({
  name: "erase a person",
  schema: erasePersonSchema.extend({ customerId }),
  context: () => staffContext("/shop/customers"),
  run: erasePerson,
  words: say,
  done: (_erased, input) => revalidatePath(`/shop/customers/${input.customerId}`),
});
