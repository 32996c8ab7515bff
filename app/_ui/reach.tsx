/** A person, one tap away: the shop's telephone number and mail address as links. */
const link = "inline-flex min-h-9 items-center";

export function Reach({ phone, email }: { readonly phone: string; readonly email: string }) {
  return (
    <>
      <a href={`tel:${phone.replace(/[^+\d]/g, "")}`} className={link}>
        {phone}
      </a>
      <a href={`mailto:${email}`} className={link}>
        {email}
      </a>
    </>
  );
}
