package org.conetender.adapter.mqtt;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.security.GeneralSecurityException;
import java.security.KeyStore;
import java.util.ArrayList;
import java.util.Base64;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A broker behind TLS, with a certificate that only this test's own trust store knows. */
class MosquittoTlsTest {

    private static final String PASSWORD = "larkmoor";

    @TempDir
    Path folder;

    @Test
    void aCertificateInTheTrustStoreIsTrustedAndAnyOtherIsNamedAsTheTrouble() throws Exception {
        Path store = certificate();
        int plainPort = MosquittoProcess.freePort();
        try (MosquittoProcess broker = MosquittoProcess.start(folder,
                "certfile "
                + pem("cert.pem", "CERTIFICATE", store(store).getCertificate("broker").getEncoded()),
                "keyfile " + pem("key.pem", "PRIVATE KEY",
                        store(store).getKey("broker", PASSWORD.toCharArray()).getEncoded()),
                "listener " + plainPort + " 127.0.0.1")) {
            String tls = broker.uri().toString().replace("mqtt:", "mqtts:");
            try (MqttTransport stranger = TestSite.open(URI.create(tls))) {
                Eventually.holds("no trust without the certificate", 10, () -> stranger.link().trouble()
                        .orElse("").contains("no trusted TLS connection to " + tls));
            }
            URI plain = URI.create("mqtt://127.0.0.1:" + plainPort);
            try (Observer person = Observer.at(plain)) {
                Process daemon = child(store, tls);
                try {
                    Eventually.holds("the child is ready over TLS", 20,
                            () -> person.heard(TestSite.STATE).contains("ready"));
                } finally {
                    assertThat(daemon.destroyForcibly().waitFor()).isNotZero();
                }
            }
        }
    }

    private static Process child(Path store, String uri) throws IOException {
        return new ProcessBuilder(tool("java"), "-Djavax.net.ssl.trustStore=" + store,
                "-Djavax.net.ssl.trustStorePassword=" + PASSWORD, "-cp",
                System.getProperty("java.class.path"),
                ChildDaemon.class.getName(), uri).inheritIO().start();
    }

    private static String tool(String name) {
        return Path.of(System.getProperty("java.home"), "bin", name).toString();
    }

    private Path certificate() throws IOException, InterruptedException {
        Path store = folder.resolve("store.p12");
        List<String> command = new ArrayList<>(List.of(tool("keytool"), "-genkeypair", "-alias", "broker",
                "-keyalg", "EC", "-dname", "CN=larkmoor", "-ext", "SAN=ip:127.0.0.1", "-validity", "2",
                "-storetype", "PKCS12", "-keystore", store.toString(), "-storepass", PASSWORD));
        assertThat(new ProcessBuilder(command).inheritIO().start().waitFor()).isZero();
        return store;
    }

    private static KeyStore store(Path path) throws IOException, GeneralSecurityException {
        return KeyStore.getInstance(path.toFile(), PASSWORD.toCharArray());
    }

    private Path pem(String name, String kind, byte[] der) throws IOException {
        String body = Base64.getMimeEncoder(64, new byte[] {'\n'}).encodeToString(der);
        Path file = Files.writeString(folder.resolve(name),
                "-----BEGIN " + kind + "-----\n" + body + "\n-----END " + kind + "-----\n");
        return Files.setPosixFilePermissions(file, PosixFilePermissions.fromString("rw-------"));
    }
}
