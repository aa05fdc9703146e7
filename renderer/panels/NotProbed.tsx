import { Empty } from "./Empty.tsx";

/** Stands where rows to probe would, on a circuit into which no probe is led. */
export function NotProbed({ why }: { readonly why: string }) {
  return <Empty title="No probe is led into this circuit">{why}</Empty>;
}
