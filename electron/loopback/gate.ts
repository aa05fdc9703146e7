import type { Socket } from "node:net";

/** Who is at the door: connections that have not shown yet that they belong to the person, and those that have. */
export interface Gate {
  /** A connection has come; where too many wait unknown, the one that waited longest is hung up on and comes back. */
  arrived(socket: Socket): Socket | null;
  /** This connection showed a cookie that was given out: from now on nobody pushes it out. */
  letIn(socket: Socket): void;
}

/**
 * A gate before which at most so many strangers wait. A page of the person's own shows its cookie with the first thing it says, so it is
 * a stranger for a moment only: however many others connect and say nothing, it is they that go.
 */
export function newGate(mostStrangers: number): Gate {
  const strangers = new Set<Socket>();
  return {
    arrived: (socket) => {
      const longest = strangers.size < mostStrangers ? undefined : strangers.values().next().value;
      if (longest) {
        strangers.delete(longest);
        longest.destroy();
      }
      strangers.add(socket);
      socket.once("close", () => strangers.delete(socket));
      return longest ?? null;
    },
    letIn: (socket) => {
      strangers.delete(socket);
    },
  };
}
