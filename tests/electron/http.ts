import { type IncomingHttpHeaders, request } from "node:http";

/** What came back over HTTP. */
export interface Reply {
  readonly status: number;
  readonly headers: IncomingHttpHeaders;
  readonly body: string;
}

/** One request as it is written, without what a browser or fetch would put right. */
export function send(
  port: number,
  path: string,
  asked: { readonly method?: string; readonly headers?: Readonly<Record<string, string>>; readonly body?: string } = {},
): Promise<Reply> {
  const { method = "GET", headers = {}, body } = asked;
  return new Promise((resolve, reject) => {
    const sent = request({ host: "127.0.0.1", port, path, method, headers, agent: false }, (response) => {
      let text = "";
      response.on("data", (piece) => {
        text += piece;
      });
      response.on("end", () => resolve({ status: response.statusCode!, headers: response.headers, body: text }));
      response.on("error", reject);
    });
    sent.on("error", reject);
    sent.end(body);
  });
}
