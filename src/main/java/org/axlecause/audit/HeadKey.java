package org.axlecause.audit;

import jakarta.inject.Singleton;
import java.security.GeneralSecurityException;
import java.security.KeyFactory;
import java.security.PrivateKey;
import java.security.PublicKey;
import java.security.Signature;
import java.security.spec.PKCS8EncodedKeySpec;
import java.security.spec.X509EncodedKeySpec;
import java.time.OffsetDateTime;
import java.time.temporal.ChronoUnit;
import java.util.Base64;
import java.util.Optional;
import org.axlecause.shared.CannotStart;
import org.axlecause.shared.Sha256;
import org.eclipse.microprofile.config.inject.ConfigProperty;
import org.jspecify.annotations.Nullable;

/** The key of the settings that signs the heads of chains, and the one that verifies them. */
@Singleton
class HeadKey {

    private static final String ALGORITHM = "Ed25519";
    private static final int ID_LENGTH = 16;

    private final @Nullable PrivateKey signing;
    private final @Nullable PublicKey verifying;
    private final String id;

    HeadKey(
            @ConfigProperty(name = "axlecause.audit.signing-key") Optional<String> signing,
            @ConfigProperty(name = "axlecause.audit.verifying-key") Optional<String> verifying) {
        try {
            KeyFactory keys = KeyFactory.getInstance(ALGORITHM);
            byte[] publicBytes = verifying.map(HeadKey::bytes).orElse(null);
            this.signing =
                    signing.isPresent() ? keys.generatePrivate(new PKCS8EncodedKeySpec(bytes(signing.get()))) : null;
            this.verifying = publicBytes == null ? null : keys.generatePublic(new X509EncodedKeySpec(publicBytes));
            id = publicBytes == null
                    ? ""
                    : Sha256.tagOf(verifying.get().strip()).substring(0, ID_LENGTH);
        } catch (GeneralSecurityException | IllegalArgumentException e) {
            throw CannotStart.because(
                    "axlecause.audit.signing-key or axlecause.audit.verifying-key is no Ed25519 key in"
                            + " base64 of DER (PKCS#8, X.509). Make a pair with openssl genpkey -algorithm ed25519.");
        }
        if (signing.isPresent() != verifying.isPresent()) {
            throw CannotStart.because(
                    "Of axlecause.audit.signing-key and axlecause.audit.verifying-key one is set; set both"
                            + " or neither.");
        }
    }

    private static byte[] bytes(String base64) {
        return Base64.getDecoder().decode(base64.strip());
    }

    /** Whether heads can be signed and verified. */
    boolean isThere() {
        return signing != null && verifying != null;
    }

    /** Signs a head at this moment, to the second. */
    SignedHead sign(String tenant, ChainHead head, OffsetDateTime now) {
        OffsetDateTime moment = now.truncatedTo(ChronoUnit.SECONDS);
        try {
            Signature signature = Signature.getInstance(ALGORITHM);
            signature.initSign(signing);
            signature.update(SignedHead.message(tenant, head.position(), head.hash(), moment));
            return new SignedHead(
                    tenant,
                    head.position(),
                    head.hash(),
                    moment,
                    id,
                    Base64.getEncoder().encodeToString(signature.sign()));
        } catch (GeneralSecurityException e) {
            throw new IllegalStateException("A head can't be signed", e);
        }
    }

    /** Whether the head was signed by this key; false also where another key signed it. */
    boolean holds(SignedHead head) {
        if (!head.keyId().equals(id)) {
            return false;
        }
        try {
            Signature signature = Signature.getInstance(ALGORITHM);
            signature.initVerify(verifying);
            signature.update(head.message());
            return signature.verify(Base64.getDecoder().decode(head.signature()));
        } catch (GeneralSecurityException | IllegalArgumentException damaged) {
            return false;
        }
    }
}
