/** What the homeserver said when it refused: its own code, and how long it wants us to wait. */
export interface Refusal {
  readonly status: number;
  readonly code: string;
  readonly wait: number | null;
  readonly softLogout: boolean;
}

interface Told {
  readonly httpStatus?: number;
  readonly errcode?: string;
  readonly data?: { readonly retry_after_ms?: unknown; readonly soft_logout?: unknown };
  readonly httpHeaders?: { get(name: string): string | null };
}

/** The refusal in an error of the library; null where the server was not reached at all. */
export function refusalIn(error: unknown): Refusal | null {
  const { httpStatus, errcode, data, httpHeaders } = error as Told;
  if (httpStatus === undefined) return null;
  return {
    status: httpStatus,
    code: errcode ?? '',
    wait: waitOf(data?.retry_after_ms, httpHeaders?.get('retry-after') ?? null),
    softLogout: data?.soft_logout === true,
  };
}

/** Milliseconds to wait: as the body says, or as the header does in seconds. */
export function waitOf(body: unknown, header: string | null): number | null {
  if (header !== null && /^\d+$/.test(header)) return Number(header) * 1000;
  return typeof body === 'number' && Number.isFinite(body) && body >= 0 ? body : null;
}

/** A short account of an error for the log, without what was sent. */
export function brings(error: unknown): object {
  const refusal = refusalIn(error);
  if (refusal) return { status: refusal.status, code: refusal.code };
  return { error: error instanceof Error ? `${error.name}: ${error.message}` : String(error) };
}
