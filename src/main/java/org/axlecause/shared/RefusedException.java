package org.axlecause.shared;

import java.util.List;

/** The caller got it wrong: carries everything that the problem document says. */
public final class RefusedException extends RuntimeException {

    private static final long serialVersionUID = 1L;

    private final transient Problem problem;

    private RefusedException(Problem problem) {
        super(problem.detail() == null ? problem.title() : problem.detail(), null, false, false);
        this.problem = problem;
    }

    /** A refusal with the code that belongs to its reason. */
    public static RefusedException because(Reason reason, String detail) {
        return because(reason, detail, List.of());
    }

    /** A refusal with the code that belongs to its reason, and all its causes. */
    public static RefusedException because(Reason reason, String detail, List<Problem.Cause> causes) {
        return because(reason, reason.code, detail, causes);
    }

    /** A refusal with a code of its own, which must be stable and kebab-case. */
    public static RefusedException because(Reason reason, String code, String detail, List<Problem.Cause> causes) {
        return new RefusedException(Problem.of(reason.status, code, reason.title, detail, causes));
    }

    /** A refusal that was already put into words. */
    public static RefusedException of(Problem problem) {
        return new RefusedException(problem);
    }

    public static RefusedException malformed(String detail, List<Problem.Cause> causes) {
        return because(Reason.MALFORMED, detail, causes);
    }

    public static RefusedException invalidEnvelope(List<Problem.Cause> causes) {
        return because(Reason.INVALID_ENVELOPE, "The envelope breaks CloudEvents 1.0.2; see the causes.", causes);
    }

    public static RefusedException invalidPayload(List<Problem.Cause> causes) {
        return because(Reason.INVALID_PAYLOAD, "The content can't be accepted; see the causes.", causes);
    }

    public static RefusedException notFound(String detail) {
        return because(Reason.NOT_FOUND, detail);
    }

    public static RefusedException notAuthenticated(String detail) {
        return because(Reason.NOT_AUTHENTICATED, detail);
    }

    public static RefusedException notAllowed(String detail) {
        return because(Reason.NOT_ALLOWED, detail);
    }

    public static RefusedException identityConflict(String detail) {
        return because(Reason.IDENTITY_CONFLICT, detail);
    }

    /** What the caller is told. */
    public Problem problem() {
        return problem;
    }

    /** Why a request is refused; each reason has one status and one default code. */
    public enum Reason {
        MALFORMED(400, "malformed-request", "The request can't be read"),
        INVALID_ENVELOPE(400, "invalid-envelope", "The event's envelope is wrong"),
        NOT_AUTHENTICATED(401, "not-authenticated", "A valid key is needed"),
        NOT_ALLOWED(403, "not-allowed", "This key may not do that"),
        NOT_FOUND(404, "not-found", "There is nothing at this address"),
        METHOD_NOT_ALLOWED(405, "method-not-allowed", "This address doesn't take that method"),
        NOT_ACCEPTABLE(406, "not-acceptable", "None of the accepted formats can be given"),
        REQUEST_TIMEOUT(408, "request-timeout", "The request took too long to arrive"),
        IDENTITY_CONFLICT(409, "identity-conflict", "The same identity was sent with other content"),
        CONFLICT(409, "conflict", "The request doesn't fit the present state"),
        GONE(410, "gone", "What was at this address is no longer kept"),
        PRECONDITION_FAILED(412, "precondition-failed", "The document has changed in the meantime"),
        TOO_LARGE(413, "too-large", "The request is too large"),
        UNSUPPORTED_FORMAT(415, "unsupported-format", "This format isn't read here"),
        INVALID_PAYLOAD(422, "invalid-payload", "The content is wrong"),
        PRECONDITION_REQUIRED(428, "precondition-required", "The request must name the version that it changes"),
        TOO_MANY_REQUESTS(429, "too-many-requests", "Too many requests"),
        UNAVAILABLE(503, "unavailable", "The service can't answer just now");

        private final int status;
        private final String code;
        private final String title;

        Reason(int status, String code, String title) {
            this.status = status;
            this.code = code;
            this.title = title;
        }

        public int status() {
            return status;
        }

        public String code() {
            return code;
        }

        public String title() {
            return title;
        }
    }
}
